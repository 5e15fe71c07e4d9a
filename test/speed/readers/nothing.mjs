// What Node takes to start and end.
