"""Layout families of datasheet tables: geometry and wording, one family a file."""
