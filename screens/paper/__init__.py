"""The paper: it paints pages of blocks and hears touches. Beside the app, the phone and the driver the only room with Kivy."""
