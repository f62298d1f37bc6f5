using System.Collections.Frozen;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Names and usual abbreviations of months and weekdays in the languages whose files are read, in small letters.</summary>
internal static class CalendarWords
{
    private static readonly string[] ByMonth =
    [
        "jan january januar jän jänner januari janv janvier ene enero gen gennaio sty styczeń stycznia janeiro",
        "feb february februar feber februari févr fév février febrero febbraio lut luty lutego fev fevereiro",
        "mar march märz mär mrz maerz mars marzo mrt maart marzec marca março",
        "apr april avr avril abr abril aprile kwi kwiecień kwietnia",
        "may mai mayo mag maggio mei maj maja maio",
        "jun june juni juin junio giu giugno cze czerwiec czerwca junho",
        "jul july juli juil juillet julio lug luglio lip lipiec lipca julho",
        "aug august août ago agosto augustus augusti sie sierpień sierpnia",
        "sep sept september septembre septiembre set settembre wrz wrzesień września setembro",
        "oct october okt oktober octobre octubre ott ottobre paź październik października out outubro",
        "nov november novembre noviembre lis listopad listopada novembro",
        "dec december dez dezember déc décembre dic diciembre dicembre gru grudzień grudnia dezembro",
    ];

    private static readonly string[] DaysOfTheWeek =
    [
        "mon tue tues wed weds thu thur thurs fri sat sun monday tuesday wednesday thursday friday saturday sunday",
        "mo di mi do fr sa so montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag",
        "lun mar mer jeu ven sam dim lundi mardi mercredi jeudi vendredi samedi dimanche",
        "ma wo vr za zo maandag dinsdag woensdag donderdag vrijdag zaterdag zondag",
        "mié jue vie sáb dom lunes martes miércoles jueves viernes sábado domingo",
        "gio sab lunedì martedì mercoledì giovedì venerdì sabato domenica",
        "seg ter qua qui sex segunda terça quarta quinta sexta",
        "pon wt śr czw pt sob nd poniedziałek wtorek środa czwartek piątek sobota niedziela",
        "mån tis ons tor tors fre lör sön måndag tisdag onsdag torsdag fredag lördag söndag",
    ];

    private static readonly FrozenDictionary<string, int> Numbers =
        ByMonth.Index().SelectMany(m => Spellings(m.Item).Select(name => (name, number: m.Index + 1))).DistinctBy(m => m.name)
            .ToFrozenDictionary(m => m.name, m => m.number, StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Weekdays = DaysOfTheWeek.SelectMany(Spellings).ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenDictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> NumberOf = Numbers.GetAlternateLookup<ReadOnlySpan<char>>();
    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> IsOneOf = Weekdays.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Number of the month, 1 to 12; 0 for another word. Case does not matter, and accents may be left out.</summary>
    public static int Month(ReadOnlySpan<char> word) => NumberOf.TryGetValue(word, out int month) ? month : 0;

    /// <summary>True for a weekday. Case does not matter, and accents may be left out.</summary>
    public static bool IsWeekday(ReadOnlySpan<char> word) => IsOneOf.Contains(word);

    private static IEnumerable<string> Spellings(string names) =>
        names.Split(' ').SelectMany(n => new[] { n, PlainLetter.Of(n) }).Distinct(StringComparer.Ordinal);
}
