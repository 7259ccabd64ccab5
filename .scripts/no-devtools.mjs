// Ink asks for this only in its development build; the bundle must resolve it to something.
export default {};
