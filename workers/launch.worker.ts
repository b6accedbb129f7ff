import { expose } from 'comlink';
import { compareModels } from '../src/compare/compareModels';
import { carryReasons } from '../src/protocol/errors';
import type { LaunchApi } from '../src/protocol/launch';

const api: LaunchApi = {
  compare: async (question, onPart, onShare) => compareModels(question, onPart, onShare),
};

carryReasons();
expose(api);
