"""From the text of a pattern to what is written in it; all faults of form are told here."""
