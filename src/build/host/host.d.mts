export const hostFolder: string;
export const hostNode: string;
export const serverMain: string;

export interface Host {
  readonly port: number;
  readonly token: string;
  /** The folder that holds everything the server writes. */
  readonly state: string;
  /** Of the process group that server, extension hosts and language servers are in. */
  readonly pid: number | undefined;
  stop(): Promise<void>;
}

export function startHost(options?: {
  readonly env?: Readonly<Record<string, string>>;
  readonly extensionsDir?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly port?: number;
}): Promise<Host>;

export function workbenchAddress(
  host: Pick<Host, 'port' | 'token'>,
  options: {
    readonly folder?: string;
    readonly file?: string;
    readonly developmentPath?: string;
    readonly testsPath?: string;
  },
): string;
