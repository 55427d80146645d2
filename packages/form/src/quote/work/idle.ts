/** Something that waits for its turn; calling it gives up. */
export type Cancel = () => void;

/** Do something when the page has nothing better to do, and at the latest after a while. */
function whenIdle(act: () => void): Cancel {
  // Some browsers have no idle callbacks.
  if (typeof requestIdleCallback !== 'function') {
    const timer = setTimeout(act, 30);
    return () => {
      clearTimeout(timer);
    };
  }
  const handle = requestIdleCallback(act, { timeout: 400 });
  return () => {
    cancelIdleCallback(handle);
  };
}

/** Do some things one after the other, each when the page is idle. */
export function inIdleChunks(steps: Iterator<unknown>): Cancel {
  let cancel: Cancel = () => undefined;
  const next = (): void => {
    cancel = whenIdle(() => {
      if (steps.next().done !== true) next();
    });
  };
  next();
  return () => {
    cancel();
  };
}
