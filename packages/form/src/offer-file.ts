/**
 * Let the browser save a text as a file. Nothing is sent anywhere: the text goes from the page to the disk.
 *
 * @param name  of the file
 * @param text  its content
 * @param type  what it is
 */
export function offerFile(name: string, text: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of the text by then; freed at once, some would save an empty file.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 10_000);
}
