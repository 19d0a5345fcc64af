"""The sheet for whoever packs kits or teaches a class, made from the same plan as the booklet."""
