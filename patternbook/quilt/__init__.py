"""The exact quilt of one size: what is sewn from what, where it lies, how many are made."""
