import fc from 'fast-check';

/** Text that would do harm wherever it were taken for more than text. */
export const hostileTexts: readonly string[] = [
  '<script>alert(1)</script>',
  '"><script>alert(1)</script>',
  '</text></svg><svg onload="alert(1)">',
  '&lt;b&gt; &#60; &amp; &unknown;',
  ']]> <!-- -- --> <?xml version="1.0"?> <![CDATA[x]]>',
  '](javascript:alert(1))',
  '"] --> evil["x',
  '|"| subgraph end classDef style a fill:#f00;',
  '%%{init: {"theme":"dark"}}%%',
  '`**bold**` #quot; #35;',
  'click s0 "javascript:alert(1)"',
  '```\n# out of the fence\n```',
  'a\u0000b\u001b[31mc\u202ed\u2066e\u2028f\ufffe\uffff',
  '\ud800 lone \udc00',
  'שלום עולם، مرحبا',
  '👩‍🔧🔧 e\u0301\u0301\u0301\u0301\u0301\u0301\u0301',
  'x'.repeat(10_000),
  'word '.repeat(2000),
];

/** Any of these, in pieces and among anything at all. */
export const hostileText = fc.oneof(
  fc.constantFrom(...hostileTexts),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .array(
      fc.constantFrom(...hostileTexts.slice(0, 14), '"', '|', ']', '[', '(', ')', '{', ';', '#'),
      {
        maxLength: 6,
      },
    )
    .map((parts) => parts.join('')),
);
