/** Seconds of the processor since `begun`, whatever else the machine does. */
export type Watch = () => number;

/**
 * Starts a watch. What it tells goes into `slow` alone, which `npm run torture` judges: a test must
 * not fail because its machine is busy. An architecture test holds that no other test reads a clock.
 */
export function watch(): Watch {
  const begun = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(begun);
    return (user + system) / 1e6;
  };
}
