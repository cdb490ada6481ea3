"""Every PDF; the only room that imports reportlab."""
