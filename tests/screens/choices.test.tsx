import { render } from 'ink-testing-library';
import SelectInput from 'ink-select-input';
import { expect, test } from 'vitest';
import { Choices } from '../../src/screens/parts.tsx';

const choices = Array.from({ length: 20 }, (_, index) => ({
  id: `c${index}`,
  label: `line ${index + 1}`,
}));

test('a long list shows the part that the cursor is in', () => {
  const { lastFrame } = render(<Choices choices={choices} cursor={11} rows={5} />);

  expect(lastFrame()?.split('\n')).toContain(' > 3  line 12');
  expect(lastFrame()?.split('\n')).toHaveLength(5);
});

test('where digits type a reading no line has a number', () => {
  const { lastFrame } = render(
    <Choices choices={choices.slice(0, 2)} cursor={1} rows={3} numbered={false} />,
  );

  expect(
    lastFrame()
      ?.split('\n')
      .map((row) => row.trimEnd()),
  ).toEqual(['   -  line 1', ' > -  line 2']);
});

test('a list marks nothing until something is pointed at', () => {
  const { lastFrame } = render(<Choices choices={choices.slice(0, 3)} cursor={-1} rows={3} />);

  expect(lastFrame()).not.toContain('>');
});

test('the list takes no keys of its own: the cursor is the program’s', () => {
  const { lastFrame, stdin } = render(
    <Choices choices={choices.slice(0, 3)} cursor={0} rows={3} />,
  );
  const before = lastFrame();

  stdin.write('\x1b[B\r');

  expect(lastFrame()).toBe(before);
});

// Why `Choices` turns the keys of the library off: of two keys in one read it takes one.
test.each([
  ['in one read', ['\x1b[B\x1b[B'], 1],
  ['in two', ['\x1b[B', '\x1b[B'], 2],
] as const)('the library by itself, down twice %s', async (_, reads, expected) => {
  const items = choices.slice(0, 3).map(({ id, label }) => ({ key: id, value: id, label }));
  const { lastFrame, stdin } = render(<SelectInput items={items} />);
  const settled = () => new Promise((done) => setTimeout(done, 50));
  await settled();

  for (const read of reads) {
    stdin.write(read);
    await settled();
  }

  expect(
    lastFrame()
      ?.split('\n')
      .findIndex((row) => row.startsWith('❯')),
  ).toBe(expected);
});
