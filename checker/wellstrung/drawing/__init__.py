"""Drawings to scale: shapes in millimetres, gathered on a canvas, written as SVG."""
