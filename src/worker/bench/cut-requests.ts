/** What the editor asks about cutting the sheets of a stack. */
import { DEFAULT_CONFIG } from '../../config/types';
import {
  type CutOptions,
  type CutSheet,
  cutFile,
  cutFileName,
  cutStack,
  cuttingCautions,
  errorsLeft,
  jobFiles,
  type LayerId,
  motionOf,
  sheetTime,
} from '../../engine/index';
import type { Point } from '../../geometry/base/curve-types';
import { linePath } from '../../picture/path-data';
import type {
  CutFigures,
  CutFilesParams,
  CutOrder,
  FilesToWrite,
  OrderedCut,
  SheetFigures,
} from '../../protocol/cutting';
import type { LayerParams } from '../../protocol/views';
import { oneLine } from '../../text/plain-text';
import type { CheckedDocument } from '../documents/checked-document';

export class CutRequests {
  /** The sheets of each stack that was asked about, as they are drawn, for as long as the stack is there. */
  private readonly known = new WeakMap<CheckedDocument, readonly CutSheet[]>();

  figures(checked: CheckedDocument): CutFigures {
    const config = configOf(checked);
    const motion = motionOf(config);
    const { layers } = checked.report.stack;
    const sheets = this.sheetsOf(checked);
    return {
      version: checked.version,
      kerf: config.compensated ? (config.kerf ?? 0) : 0,
      sheets: layers.flatMap(({ sheet: { layer } }, i) => {
        const sheet = sheets[i];
        return sheet ? [figuresOf(sheet, layer.id, motion)] : [];
      }),
    };
  }

  /** @returns undefined where there is no such layer */
  order(checked: CheckedDocument, { layer }: Omit<LayerParams, 'uri'>): CutOrder | undefined {
    const index = checked.report.stack.layers.findIndex(({ sheet }) => sheet.layer.id === layer);
    const sheet = this.sheetsOf(checked)[index];
    if (!sheet) return undefined;
    return { version: checked.version, layer, home: sheet.origin, cuts: cutsInPlace(sheet) };
  }

  files(checked: CheckedDocument, params: Omit<CutFilesParams, 'uri'>): FilesToWrite {
    const errors = errorsLeft(checked.documents().map(({ report }) => report));
    const { version } = checked;
    const found = { version, errors: errors.count, first: errors.first && oneLine(errors.first) };
    if ((errors.count > 0 && !params.anyway) || params.as.length === 0)
      return { ...found, files: [], notes: [], cautions: [], seconds: undefined };
    const motion = motionOf(configOf(checked));
    const sheets = cutStack(checked.report, optionsOf(params));
    return {
      ...found,
      files: sheets.flatMap((sheet) =>
        params.as.map((format) => ({ name: `${cutFileName(sheet)}.${format}`, text: cutFile(sheet, format) })),
      ),
      notes: sheets.flatMap(({ name, notes }) => notes.map((note) => `${oneLine(name)}: ${note}`)),
      cautions: cuttingCautions(checked.report),
      seconds: motion && sheets.reduce((sum, sheet) => sum + sheetTime(sheet, motion), 0),
    };
  }

  job(checked: CheckedDocument): FilesToWrite {
    const documents = checked.documents();
    const errors = errorsLeft(documents.map(({ report }) => report));
    const texts = documents.map(({ report }) => report.text);
    const pages = jobFiles(checked.report, this.sheetsOf(checked), titleOf(checked), texts);
    return {
      version: checked.version,
      files: Object.entries(pages).map(([name, text]) => ({ name, text })),
      errors: errors.count,
      first: errors.first && oneLine(errors.first),
      notes: [],
      cautions: [],
      seconds: undefined,
    };
  }

  private sheetsOf(checked: CheckedDocument): readonly CutSheet[] {
    const known = this.known.get(checked) ?? cutStack(checked.report);
    this.known.set(checked, known);
    return known;
  }
}

function figuresOf(sheet: CutSheet, layer: LayerId, motion: ReturnType<typeof motionOf>): SheetFigures {
  const { contours, travel } = sheet;
  return {
    layer,
    cuts: contours.length,
    length: contours.reduce((sum, { length }) => sum + length, 0),
    travel,
    seconds: motion && sheetTime(sheet, motion),
  };
}

/** The name of the project's folder, or of the file that is alone. */
function titleOf({ uri, project }: CheckedDocument): string {
  const path = project ? project.config.uri.split('/').slice(0, -1) : uri.split('/');
  const name = path.at(-1) ?? '';
  try {
    return decodeURIComponent(name).replace(/\.svg$/i, '');
  } catch {
    return name;
  }
}

function configOf({ report }: CheckedDocument) {
  return report.settings.config ?? DEFAULT_CONFIG;
}

function optionsOf({ kerf, marks }: Omit<CutFilesParams, 'uri'>): CutOptions {
  return { kerf, labels: marks === 'labels', notches: marks === 'notches' };
}

/** Page mm become sheet mm, where the picture is. */
function cutsInPlace({ contours, origin }: CutSheet): OrderedCut[] {
  const inPlace = ({ x, y }: Point): Point => ({ x: x + origin.x, y: y + origin.y });
  return contours.flatMap(({ kind, curves, length }) => {
    const [first, last] = [curves[0], curves.at(-1)];
    if (!first || !last) return [];
    return [{ kind, line: linePath(curves, origin), from: inPlace(first.start), to: inPlace(last.end), length }];
  });
}
