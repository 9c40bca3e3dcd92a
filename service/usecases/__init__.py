"""What people want done, one wish a file, and the ports that the wishes need."""
