"""Widgets of our own on Kivy's core: they declare properties and events and know no board."""
