export const root: string;
export const dist: string;
export const names: readonly string[];

export interface BundleSettings {
  readonly outdir?: string;
  readonly minify?: boolean;
}

export function bundle(name: string, settings?: BundleSettings): Promise<string>;
export function watch(settings?: BundleSettings): Promise<void>;
export function makeSchema(): Promise<{ path: string; contents: string }>;
export function copyPages(): void;
export function clean(): void;
