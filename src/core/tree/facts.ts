/** What is known of the vehicle: fact id to value; a fact that is not there is not known. */
export type Facts = Readonly<Record<string, string>>;
