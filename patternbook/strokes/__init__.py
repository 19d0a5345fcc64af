"""The pen that diagrams draw with, and the renderers that put its strokes on paper and screen."""
