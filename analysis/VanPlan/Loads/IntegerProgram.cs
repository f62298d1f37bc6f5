using System.Globalization;
using Google.OrTools.LinearSolver;

namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A load and the bound proved for it.</summary>
internal sealed record BranchResult(int[] Pieces, double Bound);

/// <summary>What the integer program came to.</summary>
/// <param name="Found">Null: no answer.</param>
/// <param name="Missing">True: the solver's native library is not there.</param>
internal readonly record struct IntegerAnswer(BranchResult? Found, bool Missing);

/// <summary>The load problem as an integer program; needs the solver's native library and does without where it is absent.</summary>
internal static class IntegerProgram
{
    /// <summary>Solves to the wanted gap or to the limit of nodes, one thread, fixed seed.</summary>
    public static IntegerAnswer TrySolve(LoadProblem problem, int[] start, LoadEffort effort)
    {
        try
        {
            using Solver? solver = Solver.CreateSolver("SCIP");
            return new IntegerAnswer(solver is null ? null : Solve(solver, problem, start, effort), solver is null);
        }
        catch (Exception missing) when (missing is DllNotFoundException or TypeInitializationException or BadImageFormatException or EntryPointNotFoundException)
        {
            return new IntegerAnswer(null, true);
        }
    }

    private static BranchResult? Solve(Solver solver, LoadProblem problem, int[] start, LoadEffort effort)
    {
        LoadUnits units = problem.Units;
        LoadJobs jobs = problem.Jobs;
        Variable[] unit = solver.MakeBoolVarArray(units.Total);
        Variable[] job = solver.MakeNumVarArray(jobs.Count, 0, 1);
        Objective objective = solver.Objective();
        Constraint money = solver.MakeConstraint(double.NegativeInfinity, problem.Limits.BudgetCents);
        bool hasSpace = !double.IsInfinity(problem.Limits.Space);
        Constraint? space = hasSpace ? solver.MakeConstraint(double.NegativeInfinity, problem.Limits.Space) : null;
        for (int u = 0; u < units.Total; u++)
        {
            LoadPart part = problem.Parts[units.Part[u]];
            objective.SetCoefficient(unit[u], units.Gain[u] - units.Charge[u]);
            money.SetCoefficient(unit[u], part.CostCents);
            space?.SetCoefficient(unit[u], part.Space);
            if (units.Piece(u) > 1)
            {
                Implies(solver, unit[u], unit[u - 1]);
            }
        }

        for (int j = 0; j < jobs.Count; j++)
        {
            objective.SetCoefficient(job[j], jobs.Weight[j]);
            for (int i = jobs.First(j); i < jobs.First(j) + jobs.Lines(j); i++)
            {
                Implies(solver, job[j], unit[units.Of(jobs.Part[i], jobs.Level[i])]);
            }
        }

        objective.SetMaximization();
        solver.SetHint(unit, [.. Enumerable.Range(0, units.Total).Select(u => start[units.Part[u]] >= units.Piece(u) ? 1.0 : 0.0)]);
        return Answer(solver, problem, unit, effort);
    }

    private static BranchResult? Answer(Solver solver, LoadProblem problem, Variable[] unit, LoadEffort effort)
    {
        solver.SetNumThreads(1);
        solver.SetSolverSpecificParametersAsString(string.Create(CultureInfo.InvariantCulture,
            $"limits/totalnodes = {effort.IntegerNodes}\nlimits/gap = {effort.GoodEnough:R}\nrandomization/randomseedshift = 7\nrandomization/permutationseed = 7"));
        Solver.ResultStatus status = solver.Solve();
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
        {
            return null;
        }

        int[] load = new int[problem.Parts.Count];
        for (int u = 0; u < unit.Length; u++)
        {
            load[problem.Units.Part[u]] += unit[u].SolutionValue() > 0.5 ? 1 : 0;
        }

        double bound = solver.Objective().BestBound();
        double slack = 1e-6 * Math.Abs(bound);
        return new BranchResult(load, problem.AlwaysDone + bound + slack);
    }

    private static void Implies(Solver solver, Variable what, Variable needs)
    {
        Constraint row = solver.MakeConstraint(double.NegativeInfinity, 0);
        row.SetCoefficient(what, 1);
        row.SetCoefficient(needs, -1);
    }
}
