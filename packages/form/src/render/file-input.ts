import { html, type TemplateResult } from 'lit';

/** An input that opens a file; the same file can be chosen again. */
export function renderFileInput(id: string, open: (file: File) => Promise<void>): TemplateResult {
  return html`<input
    id=${id}
    type="file"
    accept=".json,application/json"
    @change=${(event: Event) => {
      const input = event.currentTarget as HTMLInputElement;
      const [file] = input.files ?? [];
      if (file !== undefined) void open(file);
      input.value = '';
    }}
  />`;
}
