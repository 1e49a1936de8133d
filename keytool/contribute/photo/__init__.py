"""Photographs: taken in safely, stripped of what they tell about their maker, and given a scale bar."""
