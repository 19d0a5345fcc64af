"""What is sewn, in order: steps with their measures, counts, pressing and places to match."""
