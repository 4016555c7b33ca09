"""Words in: captions, typed lines, pastes and comments become notes, with nothing that could do harm."""
