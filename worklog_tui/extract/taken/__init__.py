"""How a reading was taken: how the machine stood, when, where and within which limit."""
