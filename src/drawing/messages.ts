/** What the reader says of what it cannot take. Cures stand in the details: none of them is offered as a fix. */
import { MARKUP_ROOM, quoted, shortened, type Wording } from '../text/wording';

const TO_PATHS = 'Convert it to outlines (paths)';

/** Elements that are drawn but leave nothing to cut. */
export const NOT_CUTTABLE_ELEMENTS: Readonly<Record<string, Wording>> = {
  text: {
    message: "Text is not cut: letters depend on each machine's fonts, so none of it is on the sheet.",
    detail: `${TO_PATHS}, and give its inner shapes bridges.`,
  },
  image: {
    message: 'A raster image has no edges to cut: nothing of it is on the sheet.',
    detail: 'Trace it to paths, or remove it.',
  },
  foreignObject: {
    message: 'Foreign content has no outline to cut: nothing of it is on the sheet.',
    detail: 'Draw it as paths, or remove it.',
  },
};

/** Elements of HTML within the drawing. */
export const EMBEDDED: Wording = {
  message: 'Embedded content has no outline to cut: nothing of it is on the sheet.',
  detail: 'Draw it as paths, or remove it.',
};

export const CLIPPING_TEXT: Wording = {
  message: "Text in a clip path clips nothing here: letters depend on each machine's fonts.",
  detail: `${TO_PATHS}.`,
};

export const CLIP_BY_TEXT: Wording = {
  message: "This clip path is sized by text, which depends on each machine's fonts: nothing is clipped.",
  detail: `${TO_PATHS}, or state clipPathUnits="userSpaceOnUse".`,
};

export const ENTITY_ELEMENTS: Wording = {
  message: 'This entity holds elements, which are not drawn: they are not on the sheet.',
  detail: 'Write the elements out where the entity stands.',
};

export const GRADIENT: Wording = {
  message: 'A gradient cannot be sprayed through one opening: the shape is painted in one flat colour.',
  detail: 'The whole shape is cut. Give it a flat colour, or split it into layers.',
};

export const PATTERN: Wording = {
  message: 'A pattern is not cut: the whole shape is one opening, without its motifs.',
  detail: 'Draw the motifs as paths.',
};

export const FILTER: Wording = {
  message: 'A filter (blur, shadow, …) cannot be cut: the shape is cut as if it had none.',
  detail: 'Card has sharp edges only. Remove the filter, or draw what it shows.',
};

export const MASK: Wording = {
  message: 'A mask is not applied: the shape is cut whole.',
  detail: 'Partly covered paint cannot be cut. Use a clip-path, or draw what remains.',
};

export const BLEND_MODE: Wording = {
  message: 'Paint covers and does not blend: the shape is cut as if mix-blend-mode were normal.',
  detail: 'Draw the blended area as a layer of its own.',
};

export const CLIP_SHAPE: Wording = {
  message: 'A clip-path with a CSS shape is not applied: the shape is cut whole.',
  detail: 'Refer to a clipPath element with url(#…) instead.',
};

export const DASHES: Wording = {
  message: 'More dashes than can be cut: the line is read as unbroken.',
  detail: 'Use longer dashes.',
};

/** @param join that few programs draw */
export function unusualJoin(join: string): Wording {
  return {
    message: `The corners of this line are read as miter, not as ${join}: few programs draw those.`,
    detail: 'State another stroke-linejoin: miter, round or bevel.',
  };
}

export const NO_NAMESPACE: Wording = {
  message: 'The svg has no namespace, so browsers do not draw it; here it is read as SVG.',
  detail: 'Add xmlns="http://www.w3.org/2000/svg" to it.',
};

export const FILL_BOX: Wording = {
  message: 'transform-box: fill-box is not followed: the origin is taken as 0,0.',
  detail: 'State the transform about a point instead.',
};

export const SLOW_SELECTORS: Wording = {
  message: 'The selectors of the style sheets take too long to match: some rules were not followed.',
  detail: 'Name elements by class or id instead.',
};

export const DEEP_USES: Wording = { message: 'Too many uses within each other: this one is not drawn.' };

export const BLOW_UP: Wording = {
  message: 'This use repeats more than can be cut in one sheet: the rest is left out.',
  detail: 'Use fewer copies of copies.',
};

export const ANIMATION: Wording = {
  message: 'Animation is not followed: the picture is cut as the attributes state it.',
};

export const DEEP_BOXES: Wording = {
  message: 'Groups within groups take too long to measure: this one is taken as smaller than it is.',
};

export const CIRCULAR_CLIP: Wording = {
  message: 'This clip path clips itself: what it clips is not drawn.',
  detail: 'Break the circle of references.',
};

export const DEEP_CLIPS: Wording = { message: 'Too many clip paths within each other: this one is not followed.' };

export const CLIP_BLOW_UP: Wording = {
  message: 'Clip paths are repeated more than can be followed: this one clips everything away.',
};

export const OUTSIDE_STYLES: Wording = {
  message: 'Style sheets outside the file are not read: colours and shapes may differ.',
  detail: 'Put the rules into a <style> element.',
};

export function circularMarker(reference: string): Wording {
  return { message: `A line in ${inMarkup(reference)} is marked with that very marker: it is drawn without.` };
}

export function partialOpacity(opacity: number): Wording {
  return {
    message: `Opacity ${trimmed(opacity)} cannot be sprayed: an opening is there or not, so the shape is cut in full.`,
    detail: 'Give the shape the colour that it looks like, or remove it.',
  };
}

export function missingReference(url: string): Wording {
  return {
    message: `Nothing in this file has the id that ${inMarkup(url)} refers to.`,
    detail: 'Correct the reference, or remove it.',
  };
}

export function externalReference(url: string): Wording {
  return {
    message: `${inMarkup(url)} lies outside this file: nothing of it is on the sheet.`,
    detail: 'Other files are not read. Copy it into this file.',
  };
}

export function unsupportedProperty(property: string): Wording {
  return {
    message: `The CSS property ${property} is not followed: a browser may draw this differently.`,
    detail: 'Use the transform, clip-path or mask attribute instead.',
  };
}

/** @param side of the sheet, mm */
export function noSheetSide(side: number): Wording {
  return {
    message: `A sheet of ${side > 1 ? 'more than 100 m' : 'less than 0.1 mm'} cannot be cut: nothing of it is read.`,
    detail: 'Correct the size of the drawing: width and height of the svg element, or of tombolo.json.',
  };
}

export const TOO_FAR: Wording = {
  message: 'This reaches farther than 100 m from the sheet: it is left out.',
  detail: 'Correct its coordinates or its transform.',
};

export function noClipPath(reference: string): Wording {
  return {
    message: `${inMarkup(reference)} is no clipPath in this file: nothing is clipped.`,
    detail: 'Correct the reference, or remove it.',
  };
}

export function circularUse(reference: string): Wording {
  return {
    message: `This use is not drawn: ${inMarkup(reference)} contains it, so it would draw itself again and again.`,
  };
}

export function unknownElement(name: string): Wording {
  return {
    message: `SVG has no element ${shortened(name, MARKUP_ROOM)}: it and what it contains are left out.`,
  };
}

/** @param root the name of the outermost element, where there is one */
export function noSvg(root: string | undefined): Wording {
  const what = root === undefined ? 'No svg element here' : `This is ${inMarkup(root)}, not an SVG`;
  return {
    message: `${what}: nothing can be cut from it.`,
    detail: 'Wrap the drawing in <svg xmlns="http://www.w3.org/2000/svg">.',
  };
}

export function noViewBox(value: string): Wording {
  return {
    message: `${inMarkup(value)} is not a viewBox: the picture is read as if it had none.`,
    detail: 'A viewBox is four numbers: left, top, width and height, the last two not negative.',
  };
}

/** @param attribute that states the sheet's width or height */
export function noSize(attribute: string): Wording {
  return {
    message: `${attribute} is not a length above zero with a unit, such as 148mm: it is ignored.`,
    detail: 'It states the size of the sheet, in mm, cm, in or another unit of the ruler.',
  };
}

/** @param element that is read as if the attribute were not there */
export function noLength(written: string, attribute: string, element: string): Wording {
  return {
    message: `${inMarkup(written)} is not a length: ${attribute} is ignored.`,
    detail: `Write a number, with or without a unit such as mm. The ${element} is read as if ${attribute} were not there.`,
  };
}

/** @param element that is read as if the attribute were not there */
export function windowLength(written: string, attribute: string, element: string): Wording {
  return {
    message: `${inMarkup(written)} depends on the window that shows it: ${attribute} is ignored.`,
    detail: `A sheet has no window. Write a length in mm. The ${element} is read as if ${attribute} were not there.`,
  };
}

/** @param value of a property that says something else to a browser, or nothing to anybody */
export function unreadValue(property: string, value: string): Wording {
  return {
    message: `${property} ${inMarkup(value)} cannot be read here: it is ignored.`,
    detail: 'Some programs may follow it. Write a colour as #rrggbb, a length as a number with or without mm.',
  };
}

/** @param name of an element that SVG has, but that stands where it draws nothing */
export function misplacedElement(name: string): Wording {
  return { message: `A ${shortened(name, MARKUP_ROOM)} draws nothing where it stands: it is left out.` };
}

/** @param reference to an element that no fill or stroke can be taken from */
export function noPaintServer(reference: string): Wording {
  return {
    message: `${inMarkup(reference)} is neither a gradient nor a pattern: nothing is painted with it.`,
    detail: 'Programs differ in what they make of it. Give the shape a flat colour.',
  };
}

/** @param condition the attribute that is not met */
export function unmetCondition(condition: string, value: string): Wording {
  return {
    message: `Drawn only where ${condition} is ${inMarkup(value)}: it is left out.`,
    detail:
      'A sheet is cut as a program draws it that speaks English and has no extensions. Remove the attribute to cut it.',
  };
}

export const SCRIPT: Wording = {
  message: 'Scripts are not run: what they would draw or change is not on the sheet.',
};

export function negativeSize(attribute: string, element: string): Wording {
  return { message: `A negative ${attribute} is not allowed: the ${element} is read as if it were not there.` };
}

function inMarkup(written: string): string {
  return quoted([written], MARKUP_ROOM)[0] ?? '';
}

function trimmed(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
