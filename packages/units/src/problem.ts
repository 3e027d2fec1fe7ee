// Why typing can't be taken, as the sentence to show at the field.

export type Problem = {
  readonly problem: string;
  /** A question that names the possible readings; a statement gets an example behind it. */
  readonly asked: boolean;
};

/** Both readings are possible: the sentence names them and what to type for each. */
export function asks(question: string): Problem {
  return { problem: question, asked: true };
}

/** What is wrong with it. */
export function says(statement: string): Problem {
  return { problem: statement, asked: false };
}

export function isProblem(value: object): value is Problem {
  return 'problem' in value;
}

/** The whole sentence at the field. */
export function problemSentence(problem: Problem, example: string): string {
  return problem.asked ? problem.problem : `${problem.problem} ${example}`;
}
