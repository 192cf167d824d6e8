/** What it costs to try a secret out; kept beside each hash, so that it can be raised later. */
export interface SecretCost {
  readonly cost: number;
  readonly blockSize: number;
  readonly parallelization: number;
}
