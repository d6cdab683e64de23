/** The text of a DXF file: group codes, each with its value, in sections. */

export type DxfVersion = 'AC1015' | 'AC1009';

export class DxfFile {
  text = '';
  private handle = 0x20;
  readonly version: DxfVersion;
  /** mm */
  readonly height: number;

  constructor(version: DxfVersion, height: number) {
    this.version = version;
    this.height = height;
  }

  /** Whether objects have handles and classes. */
  get isNew(): boolean {
    return this.version === 'AC1015';
  }

  put(code: number, value: string | number): void {
    this.text += `${String(code).padStart(3)}\n${value}\n`;
  }

  section(name: string, fill: () => void): void {
    this.put(0, 'SECTION');
    this.put(2, name);
    fill();
    this.put(0, 'ENDSEC');
  }

  point(x: number, y: number): void {
    this.put(10, decimal(x));
    this.put(20, decimal(y));
  }

  /** Handles stand for objects, in hexadecimal digits; each is given once. */
  nextHandle(): string {
    this.handle += 1;
    return this.handle.toString(16).toUpperCase();
  }
}

/** Readers want a decimal point in real numbers. */
export function decimal(value: number, digits = 6): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? '0.0' : text;
}
