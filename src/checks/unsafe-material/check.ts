import { materialOf } from '../../config/limits';
import type { Material } from '../../config/material';
import { MARKUP_ROOM, shortened, type Wording } from '../../text/wording';
import type { Check } from '../check';
import { rootSpan } from '../places';

/** Materials that a laser must not cut, or that a workshop has to agree to. A knife may cut any. */
export const unsafeMaterial: Check = {
  meta: {
    id: 'unsafe-material',
    summary: 'Material that must not be lasered, or that the workshop must agree to.',
    outcome: 'leave the material unsafe to cut',
    severity: 'error',
    reads: 'file',
    fixes: [],
    acceptable: true,
    row: { wrong: 'the beam makes poisonous or corrosive fumes of it', click: '' },
  },
  *run(stencil) {
    const material = materialOf(stencil.config);
    if (stencil.config.tool === 'knife' || material.laser === 'usual') return;
    yield {
      ...(material.laser !== 'never' && { severity: 'info' }),
      ...(material.laser === 'never' ? neverCut(material) : askFirst(material)),
      span: rootSpan(stencil),
      related: [],
    };
  },
};

function neverCut({ title }: Material): Wording {
  return {
    message: `Never cut ${shortened(title, MARKUP_ROOM)} with a laser: it gives off hydrogen chloride.`,
    detail:
      `Hydrogen chloride harms you and the machine. Take card or board instead of ${title}; or cut it with a knife, and ` +
      'say so in tombolo.json: "tool": "knife" in "cutter".',
  };
}

function askFirst({ title }: Material): Wording {
  return {
    message: `Ask your workshop before lasering ${shortened(title, MARKUP_ROOM)}: it can melt, burn or give off harmful fumes.`,
    detail:
      `Workshops disagree whether ${title} may be cut with a laser. The rules of yours, the machine's manual and local ` +
      'codes decide.',
  };
}
