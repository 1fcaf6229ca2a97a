/** The reasons of edgeAnswers: what was found, by which formula, from which numbers. */
import { arrisBarrier_m } from './arris.ts';
import type { EdgeAnswers, EdgeMoment, EdgeRequest } from './edge-answers.ts';
import type { Reason } from './reason.ts';
import { DRY_ARRIS_ANGLE_deg } from './self-damming.ts';

interface Found {
  readonly request: EdgeRequest;
  readonly best: EdgeMoment;
  readonly dry: EdgeAnswers['dry'];
  readonly roundOver: EdgeAnswers['roundOver'];
  readonly passes: number;
  readonly window: boolean;
  readonly onePass: EdgeAnswers['onePass'];
}

export function edgeReasons(found: Found): readonly Reason[] {
  const { request, best, dry, roundOver, passes, onePass } = found;
  const { height_m, topFilm_m, faceFilm_m, wanted_m, arrisRadius_m } = request;
  return [
    {
      says: found.window
        ? 'In this window one coat leaves the film wanted and its marks still level.'
        : passes > 1
          ? `One coat does not leave the film wanted: plan ${passes} coats, or a thickened mix.`
          : 'Worked at once, one coat is enough.',
      formula: 'h = sqrt(z/(rho g Theta left)) below the arris, no more than put on',
      numbers: {
        thetaLeft_per_Pa: best.thetaLeft_per_Pa,
        faceHeight_m: height_m,
        putOn_m: faceFilm_m,
        wanted_m,
        left_m: best.faceMean_m,
      },
      source: 'Jeffreys 1930, Proc. Camb. Phil. Soc. 26, 204',
      range: onePass.face_m,
      rule: 'Work the edges late: they hold more (common practice, no source).',
    },
    {
      says: roundOver.worthIt
        ? 'A 3 mm round-over would keep clearly more on the arris.'
        : 'A 3 mm round-over would not change the arris much.',
      formula:
        'film equation over a rounded profile; weight wins over surface tension from about 1.5 lc of radius',
      numbers: {
        radius_m: arrisRadius_m,
        arris_m: best.arris_m,
        rounded_m: roundOver.arris_m,
        barrier_m: arrisBarrier_m(arrisRadius_m, request.liquid),
      },
      source:
        'own solutions of the equation of Schwartz and Weidner 1995; ISO 8501-3 asks for 2 mm on steel (quoted)',
      range: onePass.arris_m,
      rule: 'Ease every edge to an eighth of an inch (common practice, no source).',
    },
    {
      says: dry.staysByItself
        ? 'Until it is wiped over, the dry arris holds this film by itself.'
        : 'A dry arris does not hold this film: dam it or let it run.',
      formula: 'greatest of 2 lc sin((angle + psi)/2) - R (1 - cos psi)',
      numbers: {
        film_m: topFilm_m,
        holds_m: dry.holds_m,
        contactAngle_deg: request.contactAngle_deg ?? DRY_ARRIS_ANGLE_deg,
      },
      source: "Gibbs' criterion, Oliver, Huh and Mason 1977 (from memory)",
    },
    {
      says: 'What leaves the top grows with the film to the power 2.5 and with the root of the flow left.',
      formula:
        '0.36832 h sqrt(rho g h^3 Theta/3) per metre, times what the arris passes; before it is worked, what a dry arris lets over',
      numbers: {
        film_m: topFilm_m,
        runOff_m3: best.runOff_m3,
        shed_m3: best.shed_m3,
        floor_m3: best.floor_m3,
      },
      source: 'own similarity solution, checked by own solution of the film equation',
    },
  ];
}
