"""Where the quilting lines lie on the top, in which order, how far apart and how long."""
