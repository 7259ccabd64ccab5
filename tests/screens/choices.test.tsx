import { render } from 'ink-testing-library';
import { expect, test } from 'vitest';
import { Choices } from '../../src/screens/parts.tsx';

const choices = Array.from({ length: 20 }, (_, index) => ({
  id: `c${index}`,
  label: `line ${index + 1}`,
}));

test('a long list shows the part that the cursor is in', () => {
  const { lastFrame } = render(<Choices choices={choices} cursor={11} rows={5} />);

  expect(lastFrame()?.split('\n')).toContain(' > d  line 12');
  expect(lastFrame()?.split('\n')).toHaveLength(5);
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
