import { finish, type Steps } from "../cutting/steps";
import type { SizedSurvey } from "../survey/sizeSurvey";
import { demandsOf } from "./demandsOf";
import { planStockInSteps, type PlanOptions, type StockPlan } from "./stockPlans";
import { stockJobs } from "./stockJobs";

/** The plans of a survey's stocks: each is made when it is first asked for. */
export interface SurveyPlans {
  readonly stocks: readonly string[];
  /** @throws as `planStock` */
  readonly planOf: (stock: string) => StockPlan;
  /** The same in steps that each take a part of the time. */
  readonly inSteps: (stock: string) => Steps<StockPlan>;
  readonly all: () => readonly StockPlan[];
}

const made = new WeakMap<SizedSurvey, WeakMap<PlanOptions, SurveyPlans>>();

/** One plan of a survey for all that ask for it with the same options: what it buys, where its pieces lie, what it costs. */
export function surveyPlans(survey: SizedSurvey, options: PlanOptions): SurveyPlans {
  const own = made.get(survey) ?? new WeakMap<PlanOptions, SurveyPlans>();
  made.set(survey, own);
  const plans = own.get(options) ?? plansOf(survey, options);
  own.set(options, plans);
  return plans;
}

function plansOf(survey: SizedSurvey, options: PlanOptions): SurveyPlans {
  const jobs = stockJobs(demandsOf(survey), survey.settings);
  const plans = new Map<string, StockPlan>();
  function* inSteps(stock: string): Steps<StockPlan> {
    const plan =
      plans.get(stock) ??
      (yield* planStockInSteps(
        jobs.find((job) => job.stock === stock)!,
        options,
      ));
    plans.set(stock, plan);
    return plan;
  }
  const planOf = (stock: string) => finish(inSteps(stock));
  return { stocks: jobs.map(({ stock }) => stock), planOf, inSteps, all: () => jobs.map(({ stock }) => planOf(stock)) };
}
