"""Landmarks on a photo of a dog: angles, plumb lines, ratios and areas, each with the uncertainty of its clicks."""
