/**
 * Files of src without a test file of their own, each with the test that covers it instead.
 * A file that has its own test, or no function to test, must not stand here.
 */
export const coveredElsewhere: Readonly<Record<string, string>> = {};
