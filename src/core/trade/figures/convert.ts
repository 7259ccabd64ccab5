import { makeFigure } from '../figure.ts';
import { convert, unitId } from '../units/units.ts';

export const convertFigure = makeFigure({
  name: 'convert',
  family: 'units',
  about: 'A value in another unit of the same quantity.',
  inputs: {
    value: { quantity: 'number', unit: '', about: 'with or without its unit', unitFor: 'from' },
    from: { quantity: 'text', unit: '', about: 'unit of the value' },
    to: { quantity: 'text', unit: '', about: 'unit wanted' },
  },
  outputs: { result: { unit: '1', about: 'the value in that unit' } },
  formula: 'value x factor / factor; temperatures with their offset',
  range: 'units of one quantity',
  source: 'NIST SP 811 appendix B, read in copies; conventional inch of mercury',
  mark: 'published',
  work: ({ from, to, value }) => ({
    values: { result: convert(value, from, to) },
    unit: unitId(to),
  }),
});
