import type { SizedSurvey } from "../survey/sizeSurvey";
import { demandsOf } from "./demandsOf";
import { planStock, type PlanOptions, type StockPlan } from "./stockPlans";
import { stockJobs } from "./stockJobs";

/** The plans of a survey's stocks: each is made when it is first asked for. */
export interface SurveyPlans {
  readonly stocks: readonly string[];
  /** @throws as `planStock` */
  readonly planOf: (stock: string) => StockPlan;
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
  const planOf = (stock: string) => {
    const plan =
      plans.get(stock) ??
      planStock(
        jobs.find((job) => job.stock === stock)!,
        options,
      );
    plans.set(stock, plan);
    return plan;
  };
  return { stocks: jobs.map(({ stock }) => stock), planOf, all: () => jobs.map(({ stock }) => planOf(stock)) };
}
