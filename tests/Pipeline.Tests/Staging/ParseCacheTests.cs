using CsCheck;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class ParseCacheTests
{
    // Few places, so that texts keep driving each other out.
    [Fact]
    public void TryGet_AnyTexts_NeverWhatWasReadFromAnother() =>
        Gen.String[Gen.Char["ab1 \u00e9"], 0, 40].Array[1, 60].Sample(texts =>
        {
            var memory = new ParseCache<string>(3);
            foreach (string text in texts)
            {
                if (memory.TryGet(text, out string known))
                {
                    Assert.Equal(text, known);
                }

                memory.Keep(text, text);
                Assert.True(memory.TryGet(text, out known));
                Assert.Equal(text, known);
            }
        });

    [Fact]
    public void Keep_TextsThatHardlyRepeat_NoLongerRemembered()
    {
        var memory = new ParseCache<int>(8);
        for (int i = 0; i < 20_000; i++)
        {
            string text = $"J{i}";
            Assert.False(memory.TryGet(text, out _));
            memory.Keep(text, i);
        }

        Assert.False(memory.TryGet("J19999", out _));
    }

    [Fact]
    public void Keep_FewTextsAmongMany_StillRemembered()
    {
        var memory = new ParseCache<int>(8);
        for (int i = 0; i < 60_000; i++)
        {
            string text = i % 2 == 0 ? "same" : $"J{i}";
            if (!memory.TryGet(text, out _))
            {
                memory.Keep(text, i);
            }
        }

        Assert.True(memory.TryGet("same", out _) || Again(memory));

        static bool Again(ParseCache<int> memory)
        {
            memory.Keep("same", 1);
            return memory.TryGet("same", out _);
        }
    }
}
