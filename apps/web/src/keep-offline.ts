interface WorkerPolicy {
  createScriptURL(url: string): string;
}

declare global {
  interface Window {
    trustedTypes?: { createPolicy(name: string, rules: WorkerPolicy): WorkerPolicy };
  }
}

const WORKER = './sw.js';

/** Register the offline worker, where the browser has one. Without it the page works, online only. */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  const policy = window.trustedTypes?.createPolicy('unitbook-worker', {
    createScriptURL: (url) => {
      if (url !== WORKER) throw new TypeError(`Not the address of the offline worker: ${url}`);
      return url;
    },
  });
  navigator.serviceWorker.register(policy?.createScriptURL(WORKER) ?? WORKER).catch((error: unknown) => {
    console.warn('The page will not work offline:', error);
  });
}
