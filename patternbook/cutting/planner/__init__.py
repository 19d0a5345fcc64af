"""Cutting plans that are proven best of their kind, in whole numbers, by column generation."""
