"""Front page, exhibitor's face, the demo: whatever needs every room."""
