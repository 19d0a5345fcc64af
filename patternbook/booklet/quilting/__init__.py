"""The quilting pages: the whole plan of the quilting in words, beside its pictures."""
