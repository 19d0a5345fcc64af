"""The commands, one a file: what each is called, what it may be told, and how it runs."""
