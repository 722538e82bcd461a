// What stands against a form as a whole and at none of its fields. Draws nothing when there is nothing.
import './whole-problems.css';

export function WholeProblems({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <div className="whole-problems" role="alert">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
