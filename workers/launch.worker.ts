import { compareModels } from '../src/compare/compareModels';
import { fitSeries } from '../src/compare/fitSeries';
import { speedCurve } from '../src/launch/speedCurve';
import type { LaunchApi } from '../src/protocol/launch';
import { serve } from './serve';

const api: LaunchApi = {
  compare: async (question, onPart, onShare) => compareModels(question, onPart, onShare),
  curve: async (question, onShare) => speedCurve(question, onShare),
  fit: async (question, onShare) => fitSeries(question, onShare),
};

serve(api);
