"""What each command does: files in, one estimate, papers out; no arithmetic."""
