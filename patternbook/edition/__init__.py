"""The run from source to outputs, and what was built from what."""
