"""From a page's content to the characters, lines and pictures that it draws, each with its place on the page as shown."""
