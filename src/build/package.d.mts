export const packed: string;
export function pack(): string;
