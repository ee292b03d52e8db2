/**
 * Where the API begins. A change that breaks a client gets a new number. Apart from the list of endpoints, so that a
 * page loads only those that it asks.
 */
export const apiBase = "/api/v1";
