"""What comes off the cloth: strips, sub-cuts, yardage, packs, backing, batting and binding."""
