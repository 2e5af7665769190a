"""What an order or a price would lack."""
