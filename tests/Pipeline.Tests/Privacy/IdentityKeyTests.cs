using System.Text;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class IdentityKeyTests
{
    [Fact]
    public void LoadOrMake_FirstRun_KeyForItsOwnerOnlyAndTheSameAfterwards()
    {
        string folder = Directory.CreateTempSubdirectory("partssignal-").FullName;
        try
        {
            string path = Path.Combine(folder, "out", "identity.key");
            var first = IdentityKey.LoadOrMake(path);
            var again = IdentityKey.LoadOrMake(path);
            Assert.Equal(first.Identify("phone", "123"), again.Identify("phone", "123"));
            Assert.NotEqual(first.Identify("phone", "123"), first.Identify("name", "123"));
            if (!OperatingSystem.IsWindows())
            {
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void LoadOrMake_FileThatIsNoKey_Refused()
    {
        string path = Path.GetTempFileName();
        try
        {
            Assert.Throws<InvalidDataException>(() => IdentityKey.LoadOrMake(path));
        }
        finally
        {
            File.Delete(path);
        }
    }

    // The published test vector of keyed BLAKE3 for one byte of zero: what a realm and a text of no characters come to.
    [Fact]
    public void Identify_PublishedVector_ItsFirst96Bits() =>
        Assert.Equal("6d7878dfff2f485635d39013", new IdentityKey(Encoding.ASCII.GetBytes("whats the Elvish word for friend")).Identify("", ""));

    [Fact]
    public void IdentifyLong_TextRealmOrKeyChanged_AnotherIdentifier()
    {
        string text = new('x', 5_000);
        string[] identifiers =
        [
            Long(new byte[32], "row", text),
            Long(new byte[32], "row", text[1..] + 'y'),
            Long(new byte[32], "job", text),
            Long([.. Enumerable.Repeat((byte)1, 32)], "row", text),
        ];
        Assert.Equal(identifiers.Length, identifiers.Distinct().Count());
        Assert.Equal(identifiers[0], Long(new byte[32], "row", text));

        static string Long(byte[] key, string realm, string text)
        {
            Span<char> identifier = stackalloc char[IdentityKey.IdentifierLength];
            new IdentityKey(key).IdentifyLong(realm, text, identifier);
            return identifier.ToString();
        }
    }

    [Theory]
    [InlineData("+44 7700 900285", "07700900285")]
    [InlineData("0117 496 0463", "(0117) 496-0463")]
    public void Of_SamePhoneTypedTwoWays_SamePlace(string a, string b) => Assert.Equal(PlaceText.Of(a, "", ""), PlaceText.Of(b, "", ""));

    [Fact]
    public void Of_NoPhone_AddressThenNameThenNothing()
    {
        Assert.Equal(("address", "12millrdtown"), PlaceText.Of("", "12 Mill Rd., Town", "X Y"));
        Assert.Equal(("name", "adaho"), PlaceText.Of("-", "", "Ada Ho"));
        Assert.Null(PlaceText.Of("", "", " "));
    }
}
