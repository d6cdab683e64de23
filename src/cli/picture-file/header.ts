/** What a file says of its picture before the pixels. */
export interface PictureHeader {
  readonly width: number;
  readonly height: number;
  /** Bytes that decoding one pixel takes. */
  readonly bytesPerPixel: number;
}
