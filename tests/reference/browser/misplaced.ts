/** What a browser, which sets the text itself, finds out of place in the drawing on its page. */
export const misplaced = `(() => {
  const boxes = [...document.querySelectorAll('svg rect')].map((box) => box.getBBox());
  const texts = [...document.querySelectorAll('svg text')].map((text) => ({ words: text.textContent, at: text.getBBox() }));
  const overRight = ({ at }) => {
    const middle = at.y + at.height / 2;
    return boxes.some(({ x, y, width, height }) =>
      at.x >= x && at.x < x + width && middle > y && middle < y + height && at.x + at.width > x + width - 1);
  };
  const meets = (one, other) =>
    one.at.x < other.at.x + other.at.width - 1 && other.at.x < one.at.x + one.at.width - 1 &&
    one.at.y < other.at.y + other.at.height - 3 && other.at.y < one.at.y + one.at.height - 3;
  return {
    texts: texts.length,
    overRight: texts.filter(overRight).map(({ words }) => words),
    overlapping: texts.filter((one, index) => texts.slice(index + 1).some((other) => meets(one, other))).map(({ words }) => words),
  };
})()`;
