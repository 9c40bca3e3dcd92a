"""The engine: facts in, findings out; pure functions without web, SQL, PDF, clock or files."""
