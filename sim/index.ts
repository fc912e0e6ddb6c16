/** The public face of the simulator: all that the page, the command line and the tests may use. */

export {
  type AxisFigures,
  type AxisReport,
  axisEfforts,
  axisFigures,
  type PowerLossFate,
  reportAxis,
  type StrategyFitness,
} from './ask/actuators.ts'
export { type ComparedAxis, compareAxes } from './ask/compare-axes.ts'
export { fitAxis, wantedEffort } from './ask/fit-axis.ts'
export { type CheckedLesson, checkLesson } from './ask/lesson/check.ts'
export { type LessonFigure, placeholdersOf } from './ask/lesson/figures.ts'
export type { Lesson, Question } from './ask/lesson/format.ts'
export {
  type Goal,
  type Judgement,
  judgeLesson,
  type LessonItem,
  type LessonRun,
  runLesson,
  sliderValues,
} from './ask/lesson/judge.ts'
export type { Bound } from './ask/loop-trial.ts'
export { FIXED_FIGURES, type FixedFigure } from './ask/model/fixed.ts'
export {
  type CounterRun,
  type CounterRuns,
  counterRuns,
  HOTTEST,
  type Outcome,
  SIMPLIFICATIONS,
  simplificationsOf,
  toldOf,
} from './ask/model/index.ts'
export type { BoundFigure, Element, Simplification } from './ask/model/simplification.ts'
export {
  allTold,
  askedIn,
  axisAsked,
  edgesAsked,
  isTold,
  jobAsked,
  missingIn,
  NEW_JOBS,
  suggestedEffort,
  unsound,
  workAsked,
} from './ask/new-job/index.ts'
export { type Answers, type AskChoice, type AskFigure, type AskStep, BLANK, type Edges } from './ask/new-job/job.ts'
export { type Recommendation, recommend } from './ask/recommend.ts'
export {
  type Rescue,
  type RescueProgress,
  rescues,
  type Share,
  sortRescues,
} from './ask/rescue.ts'
export { type Runner, runHere, runnerOn } from './ask/runner.ts'
export { type SimulatedStep, type SimulatedSteps, simulatedSteps } from './ask/simulated-step.ts'
export { type AfterQuestion, runAfter } from './ask/spread/after.ts'
export { answerOf, QUANTILES, type ShareOf, type SpreadAnswer } from './ask/spread/answer.ts'
export { type Area, areasOf } from './ask/spread/areas.ts'
export { runBand, type TraceBand } from './ask/spread/band.ts'
export { batchesOf, type SpreadStudy } from './ask/spread/batch.ts'
export { BEYOND } from './ask/spread/beyond.ts'
export { type Answer, answering, crewOf, type Hand, Owed, type Telling } from './ask/spread/crew.ts'
export { drawing, lawOf, variedPaths } from './ask/spread/draw.ts'
export { densityOf, quantileOf } from './ask/spread/laws.ts'
export { demandsOf, type Fate, fatesOf, isFit, type Outcome as PartOutcome } from './ask/spread/outcome.ts'
export { BATCH } from './ask/spread/points.ts'
export { type BestProgress, runBest } from './ask/spread/run-best.ts'
export {
  type DriverRows,
  type Drivers,
  driversAnswer,
  runDrivers,
  type Subject,
  subjectsOf,
} from './ask/spread/run-drivers.ts'
export { classOf, type GripMap, type MapAxis, type MapGrid, runMap, UNFIT } from './ask/spread/run-map.ts'
export { type RareGrips, runRare, tailOf } from './ask/spread/run-rare.ts'
export { count, emptyTally, fateAt, type Tally, type TallyText, tallyFrom, tallyText } from './ask/spread/tally.ts'
export type { Crew } from './ask/spread/tasks.ts'
export { type Gained, runTightened, type TightCounts, type Tightened, tightenedOf } from './ask/spread/tighten.ts'
export { type UsualSpread, usualSpreads } from './ask/spread/usual.ts'
export { bestOf, type TuneProgress, tradeOff, tuneGains } from './ask/tune.ts'
export { REACH, type TuneCandidate, type TuneFigure, type TuneObjective, type TuneOptions } from './ask/tune-judge.ts'
export { type Cause, explain, type Why } from './ask/why.ts'
export { accelerationOf } from './axis/fill-arm.ts'
export { axisOf } from './axis/reflect.ts'
export type { CapResult, CapVerdict } from './job/cap/result.ts'
export { capIn } from './job/cap/scenario.ts'
export { torqueWindow } from './job/cap/window.ts'
export { backMass } from './job/grip/fill.ts'
export { contactsOf, gyrationOf, padRadiusOf, travelToContact } from './job/grip/geometry.ts'
export { METRICS, type Metric } from './job/grip/metrics.ts'
export {
  type GripEvents,
  type GripResult,
  type MetricId,
  type Metrics,
  VERDICTS,
  type Verdict,
} from './job/grip/result.ts'
export { type ForceWindow, forceWindow } from './job/grip/window.ts'
export { isWell, JOBS, jobOf } from './job/index.ts'
export type { ChannelKind, Doubt, RunResult } from './job/job.ts'
export { hunts, isHunting, type LiveFigures, type LiveState } from './job/live.ts'
export { fitOf, forceLimit, jointPressure } from './job/press/fill.ts'
export type { PressResult, PressVerdict } from './job/press/result.ts'
export { pressIn } from './job/press/scenario.ts'
export { allowedForce, jointWindow, neededForce } from './job/press/window.ts'
export { type Overload, RATINGS, type Rating } from './job/ratings.ts'
export { startInertia, topSpeed, webStiffness } from './job/web/fill.ts'
export type { WebVerdict } from './job/web/result.ts'
export { webIn } from './job/web/scenario.ts'
export { tensionWindow, timeConstant } from './job/web/window.ts'
export {
  type Alignment,
  type FitFault,
  type FittedValue,
  type FitWish,
  NoFit,
  type ResidualOf,
  type Untold,
} from './log/facts.ts'
export { FitStopped } from './log/fit.ts'
export { type Identified, identify } from './log/identify.ts'
export { logOf } from './log/jobs/index.ts'
export { layOver } from './log/lay.ts'
export { type AnswerChannel, type Measured, unitsOf as answerUnits } from './log/measured.ts'
export { type Channel as LogChannel, channelLabel, channelNamed, LOG_CHANNELS } from './log/read/channels.ts'
export { columnChoice } from './log/read/choice.ts'
export type { LogFault, LogRemark, Reason as ColumnReason, SkipReason } from './log/read/facts.ts'
export {
  type Choices,
  type Clock,
  type Column,
  type ColumnChoice,
  channelOf,
  type Layout,
  type Log,
  type Recording,
  type Skipped,
} from './log/read/log.ts'
export { LogReader, type ReadOptions } from './log/read/reader.ts'
export type { Table } from './log/read/table.ts'
export { understand } from './log/read/understand.ts'
export { measuredOf, type Taken } from './log/recorded.ts'
export type { Answer as LogAnswer, Driver, ReplaySetup } from './log/replay.ts'
export { DELAY as LOG_DELAY } from './log/replayed.ts'
export { axisResponse, type Shown as ResponseShown } from './log/response/axis.ts'
export { countedRows, fitResponse, type ResponseFit } from './log/response/fit.ts'
export { curveOf, decades, type ResponseCurve, responseFrom } from './log/response/from.ts'
export { type MeasuredResponse, type ResponseInput, unrelatedBelow } from './log/response/spectrum.ts'
export { type ResponseSaid, type ResponseUnits, responseIn } from './log/response/table.ts'
export { type Spectrum, spectrumOf } from './log/spectrum.ts'
export { freeable, type LaidLog } from './log/stages.ts'
export {
  type AnalysisOptions,
  analyseLoops,
  type LoopAnalysis,
  type LoopsResult,
} from './loops/analyse.ts'
export type { Complex } from './loops/complex.ts'
export type { Figure, GainDesign, Wanted } from './loops/design/design.ts'
export { designGains, tryDesign } from './loops/design/index.ts'
export { type Limit, limitsOf } from './loops/design/limits.ts'
export { type DesignOutcome, outcomeOf } from './loops/design/outcome.ts'
export { driveResolutions } from './loops/drive/resolution.ts'
export { type DriveScales, driveSettings, scalesFrom } from './loops/drive/settings.ts'
export { driveSheet, type EnteredLoops, enteredLoops, type JudgedSetting, judgedSettings } from './loops/drive/sheet.ts'
export type { WorkBound } from './loops/jobs/job.ts'
export type { Margins } from './loops/margins.ts'
export { LOOPS, type LoopId } from './loops/model.ts'
export { loopModels, responseCsv } from './loops/models.ts'
export type { Curves } from './loops/response.ts'
export type { StepResponse } from './loops/step-response.ts'
export { STIFFNESS_SPREAD, type WorkingPoint, type WorkingPointId, workingPointsOf } from './loops/working-point.ts'
export { CHANNELS, type Channel, channelsOf, type Traces } from './run/channels.ts'
export { type Core, compiledCore, sourceCore } from './run/core.ts'
export { tracesCsv } from './run/csv.ts'
export { LivePlant } from './run/live.ts'
export { CUT, RESTORE, shakeOf } from './run/live-state.ts'
export type { OnChunk, OnProgress } from './run/run.ts'
export { judgeGrip, type Simulated, type SimulateOptions, simulateGrip } from './run/simulate.ts'
export { finerScenarios, stepCheck, uncheckable } from './run/step-error.ts'
export { fitnessWhy } from './say/axes.ts'
export { torqueLines } from './say/cap.ts'
export { designWords } from './say/design.ts'
export { enteredWords, remarkOn, resolutionLabel, resolutionWords, settingLabel } from './say/drive.ts'
export { faultIn } from './say/fault.ts'
export {
  formatFigure,
  formatPlain,
  inPlainSpaces,
  NO_FIGURE,
  withUnit,
} from './say/figure.ts'
export {
  alignmentTexts,
  fitChannel,
  fitFaultText,
  fitNote,
  freeName,
  intervalText,
  logsText,
  notesWith,
  residualText,
  responseName,
  responseNote,
  responseText,
  takenText,
  untoldText,
} from './say/fit.ts'
export type { WindowWords } from './say/job.ts'
export { jobWords, logWords, loopWords, rescueWords, studyWords, whyFigure } from './say/jobs.ts'
export { lessonFigureText, lessonText } from './say/lesson.ts'
export { limitName, limitWords } from './say/limits.ts'
export { actTitle, liveSentence } from './say/live.ts'
export { clockText, columnReason, layoutText, logFaultText, logRemarkText, skipText } from './say/log.ts'
export { frictionNote, loopNote, missingLoops } from './say/loops.ts'
export { metricText, plainMetric, stepErrorOf, worth } from './say/metric.ts'
export { type OutputUnits, outputUnits } from './say/output.ts'
export { windowLines } from './say/press.ts'
export { progressText } from './say/progress.ts'
export { rareSentences } from './say/rare.ts'
export { overloadSentences } from './say/ratings.ts'
export { reasonOf } from './say/reason.ts'
export { recommendedName, recommendSentences } from './say/recommend.ts'
export { boundText } from './say/requirements.ts'
export { costWords, rescueSentence } from './say/rescue.ts'
export { settingsCsv, settingsMarkdown } from './say/sheet.ts'
export { assumedOf, CAUTION, shownAs } from './say/shown/index.ts'
export type { Key } from './say/shown/shown.ts'
export {
  afterSentence,
  demandName,
  driversSentence,
  driverText,
  failedDemands,
  grouped,
  holdSentence,
  notAfter,
  othersSentence,
  percent,
  rangeText,
  subjectName,
  tightSentence,
  tightText,
} from './say/spread.ts'
export { textIn } from './say/text.ts'
export { missWhy, missWords } from './say/tune.ts'
export {
  knowsUnit,
  type Quantity,
  quantityUnit,
  type ShownUnit,
  shownUnit,
  type UnitSource,
  type UnitSystem,
} from './say/units.ts'
export { tensionLines } from './say/web.ts'
export { whyRule, whySentence } from './say/why.ts'
export { damageWord, stiffWords } from './say/window.ts'
export { type Wording, wordingOf } from './say/wording.ts'
export * from './scenario/index.ts'
export { STRATEGIES, strategiesOn, strategyOf } from './strategy/index.ts'
export type { ForceBand, StrategyId, StrategyKind } from './strategy/strategy.ts'
