namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// Fills what money and space are left, best worth per price first. Sees runs of pieces of one part (the second piece
/// may matter where the first does not) and whole part sets of jobs (a part may be worth nothing without another).
/// </summary>
internal sealed class GreedyLoad
{
    private readonly LoadProblem _problem;
    private readonly double _perCent;
    private readonly double _perSpace;

    public GreedyLoad(LoadProblem problem)
    {
        _problem = problem;
        _perCent = 1.0 / Math.Max(problem.Limits.BudgetCents, 1);
        _perSpace = double.IsInfinity(problem.Limits.Space) ? 0 : 1 / Math.Max(problem.Limits.Space, 1);
    }

    /// <summary>Adds until nothing that fits is worth its charge.</summary>
    /// <param name="state">The load.</param>
    /// <param name="except">A part not to add to; -1: none.</param>
    /// <param name="byWorth">True: most worth first, whatever the price.</param>
    public void Run(LoadState state, int except = -1, bool byWorth = false)
    {
        while (Step(state, except, byWorth))
        {
        }
    }

    /// <summary>Makes the best move that fits; false when none is worth its charge.</summary>
    public bool Step(LoadState state, int except = -1, bool byWorth = false)
    {
        Move best = Move.None;
        for (int p = 0; p < _problem.Parts.Count; p++)
        {
            best = p == except ? best : BestRun(state, p, byWorth, best);
        }

        for (int j = 0; j < _problem.Jobs.Count; j++)
        {
            best = state.Finishes(j) ? best : WholeSet(state, j, except, byWorth, best);
        }

        if (best.Kind != MoveKind.Nothing)
        {
            Apply(state, best);
        }

        return best.Kind != MoveKind.Nothing;
    }

    private Move BestRun(LoadState state, int part, bool byWorth, Move best)
    {
        double gain = 0;
        int added = 0;
        while (state.CanAdd(part) && state.Fits(part, 1))
        {
            gain += state.GainOfNext(part);
            state.Add(part);
            added++;
            best = Better(best, new Move(MoveKind.Pieces, part, added, gain, Price(part, added)), byWorth);
        }

        Undo(state, part, added);
        return best;
    }

    private Move WholeSet(LoadState state, int job, int except, bool byWorth, Move best)
    {
        if (!SetFits(state, job, except, out double price))
        {
            return best;
        }

        LoadJobs jobs = _problem.Jobs;
        double before = state.Value;
        int first = jobs.First(job);
        int lines = jobs.Lines(job);
        Span<int> added = stackalloc int[lines];
        for (int i = 0; i < lines; i++)
        {
            while (state.Pieces[jobs.Part[first + i]] < jobs.Level[first + i])
            {
                state.Add(jobs.Part[first + i]);
                added[i]++;
            }
        }

        var move = new Move(MoveKind.Set, job, 1, state.Value - before, price);
        for (int i = lines - 1; i >= 0; i--)
        {
            Undo(state, jobs.Part[first + i], added[i]);
        }

        return Better(best, move, byWorth);
    }

    private bool SetFits(LoadState state, int job, int except, out double price)
    {
        LoadJobs jobs = _problem.Jobs;
        long money = state.CostCents;
        double space = state.Space;
        price = 0;
        for (int i = jobs.First(job); i < jobs.First(job) + jobs.Lines(job); i++)
        {
            int part = jobs.Part[i];
            int need = jobs.Level[i] - state.Pieces[part];
            if (need > 0)
            {
                money += need * _problem.Parts[part].CostCents;
                space += need * _problem.Parts[part].Space;
                price += Price(part, need);
                if (part == except || !_problem.Limits.Allows(money, space))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private void Apply(LoadState state, Move move)
    {
        if (move.Kind == MoveKind.Pieces)
        {
            for (int k = 0; k < move.Count; k++)
            {
                state.Add(move.Index);
            }

            return;
        }

        LoadJobs jobs = _problem.Jobs;
        for (int i = jobs.First(move.Index); i < jobs.First(move.Index) + jobs.Lines(move.Index); i++)
        {
            while (state.Pieces[jobs.Part[i]] < jobs.Level[i])
            {
                state.Add(jobs.Part[i]);
            }
        }
    }

    private double Price(int part, int pieces) =>
        pieces * ((_perCent * _problem.Parts[part].CostCents) + (_perSpace * _problem.Parts[part].Space));

    private static void Undo(LoadState state, int part, int pieces)
    {
        for (int k = 0; k < pieces; k++)
        {
            state.Remove(part);
        }
    }

    private static Move Better(Move best, Move other, bool byWorth)
    {
        if (other.Kind == MoveKind.Nothing || other.Gain <= 1e-12)
        {
            return best;
        }

        if (best.Kind == MoveKind.Nothing)
        {
            return other;
        }

        double lead = byWorth ? other.Gain - best.Gain : (other.Gain * best.Price) - (best.Gain * other.Price);
        return lead > 1e-15 || (lead >= -1e-15 && other.Price < best.Price) ? other : best;
    }

    private enum MoveKind
    {
        Nothing,
        Pieces,
        Set,
    }

    private readonly record struct Move(MoveKind Kind, int Index, int Count, double Gain, double Price)
    {
        public static readonly Move None = new(MoveKind.Nothing, 0, 0, 0, 0);
    }
}
