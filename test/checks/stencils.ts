/** What the tests of single checks share: small sheets, and the findings of one check in them. */
import { expect } from 'vitest';
import type { Finding } from '../../src/checks/finding';
import type { CheckId } from '../../src/config/check-id';
import { check } from '../../src/engine/check/check-file';
import type { Settings } from '../../src/report/report';

/** A sheet of 100 × 100 mm, one user unit a millimetre. */
export function sheetOf(body: string, attributes = ''): string {
  const size = 'width="100mm" height="100mm" viewBox="0 0 100 100"';
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" ` +
    `xmlns:xlink="http://www.w3.org/1999/xlink" ${size} ${attributes}>${body}</svg>`
  );
}

export interface Found {
  /** The text that is underlined. */
  readonly text: string;
  readonly severity: Finding['severity'];
  /** Rounded to 0.01, with its unit. */
  readonly measure: string | undefined;
  readonly message: string;
  readonly detail: string | undefined;
  readonly layer: string | undefined;
  /** The texts of the related places. */
  readonly related: readonly string[];
}

/** The findings of one check, in the order reported; spans must lie in the text. */
export function findingsOf(id: CheckId, svg: string, settings: Settings = {}): Found[] {
  const cut = ({ from, to }: Finding['span']) => {
    expect(0 <= from && from <= to && to <= svg.length).toBe(true);
    return svg.slice(from, to);
  };
  return check(svg, settings)
    .findings.filter((finding) => finding.check === id)
    .map((finding) => ({
      text: cut(finding.span),
      severity: finding.severity,
      measure: finding.measure && `${finding.measure.value.toFixed(2)} ${finding.measure.unit}`,
      message: finding.message,
      detail: finding.detail,
      layer: finding.layer,
      related: finding.related.map(({ span }) => cut(span)),
    }));
}
