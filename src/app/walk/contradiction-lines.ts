/** What a contradiction can be; the program never settles it by itself. */
export const contradictionLines = [
  { is: 'misread', label: 'the last one was misread: answer it anew' },
  { is: 'misread-before', label: 'the one before was misread: answer that anew' },
  { is: 'new', label: 'something new has gone wrong since' },
  { is: 'no-repeat', label: 'it does not repeat: neither counts' },
] as const;
