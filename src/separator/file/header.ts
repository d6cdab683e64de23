/** What a file says of its picture before the pixels. */

/** No picture, or one that cannot be read. Its message is a clause that follows the picture's name. */
export class UnreadablePicture extends Error {
  override readonly name = 'UnreadablePicture';
}

export interface PictureHeader {
  readonly width: number;
  readonly height: number;
  /** Bytes that decoding one pixel takes. */
  readonly bytesPerPixel: number;
}
