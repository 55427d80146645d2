/** What the browser asks before a script is started from an address that is a plain text; null refuses it. */
interface AddressPolicy {
  createScriptURL(address: string): string | null;
}

interface PolicyMaker {
  createPolicy(name: 'default', rules: AddressPolicy): unknown;
}

/** The one script that may be started as a worker: it makes the draws of a quote. */
const WORKER = /^assets\/draw-worker-[\w-]+\.js$/;

/**
 * Let the form start its worker under the page's policy, and nothing else: any other address stays refused.
 * The form itself knows nothing of policies, so that it works on other pages, too.
 */
export function allowWorkers(): void {
  const { trustedTypes } = window as { readonly trustedTypes?: PolicyMaker };
  const base = new URL('.', document.baseURI).href;
  trustedTypes?.createPolicy('default', {
    createScriptURL: (address) =>
      address.startsWith(base) && WORKER.test(address.slice(base.length)) ? address : null,
  });
}
