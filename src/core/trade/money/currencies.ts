// Currencies by the digits that their minor unit has behind the point. Source: ISO 4217, list one as
// published on 2024-06-25, read in the data of the npm package currency-codes 2.2.0; metals, bond
// units, testing codes and codes without a country are left out: nobody pays a bill in them.
const codes: readonly (readonly [digits: number, codes: string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
  [
    2,
    'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG',
  ],
];

const digitsByCode: ReadonlyMap<string, number> = new Map(
  codes.flatMap(([digits, all]) => all.split(' ').map((code) => [code, digits] as const)),
);

/** All codes that are known, as ISO 4217 writes them. @tested */
export const currencyCodes: readonly string[] = [...digitsByCode.keys()];

/** Digits of the minor unit of a code: 0 of JPY, 2 of EUR, 3 of KWD; undefined for no code. */
export const minorDigits = (code: string): number | undefined => digitsByCode.get(code);

// Which currencies bear a sign: common practice, no source. A sign of one currency alone is that
// currency; one that several share means the currency of the job if that bears it.
const bearers: Readonly<Record<string, string>> = {
  $: 'USD CAD AUD NZD SGD HKD TWD BSD BBD BZD BMD BND KYD XCD FJD GYD JMD LRD NAD SBD SRD TTD MXN ARS CLP COP UYU DOP CUP',
  '£': 'GBP EGP FKP GIP SHP SSP SYP LBP',
  '¥': 'JPY CNY',
  '€': 'EUR',
  '₹': 'INR',
  '₺': 'TRY',
  '₽': 'RUB',
  '₴': 'UAH',
  '₪': 'ILS',
  '₩': 'KRW',
  '₫': 'VND',
  '₱': 'PHP',
  '฿': 'THB',
};

/** Codes of the currencies that bear a sign; none for a sign that is not known. */
export const bearersOf = (sign: string): readonly string[] =>
  Object.hasOwn(bearers, sign) ? (bearers[sign] ?? '').split(' ') : [];
