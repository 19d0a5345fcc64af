"""The booklet: frozen pages of finished words, set in HTML, printed as PDF."""
