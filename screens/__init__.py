"""Kivy: reads inputs, calls logic, shows results. No formula lives here."""
