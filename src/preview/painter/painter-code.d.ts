/** The bundle of `worker.ts` as text, put in by the build: a webview starts threads from text alone. */
declare module 'painter-code' {
  const code: string;
  export default code;
}
