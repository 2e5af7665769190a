"""Problems of reading: a line cannot be understood, or a model cannot be built. The front end finds them."""
