"""What a number measures, and of what: listed, without a unit, by what it is taken on or by the habit of the trade."""
