using System.Runtime.InteropServices;
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
            UInt128 phone = IdentityKey.Digest(IdentityRealm.Phone, "123");
            Assert.Equal(first.Identify(phone), again.Identify(phone));
            Assert.NotEqual(first.Identify(phone), first.Identify(IdentityKey.Digest(IdentityRealm.Customer, "123")));
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

    // The published example of AES-256 (FIPS 197, C.3), first 72 bits of its 8ea2b7ca516745bfea...
    [Fact]
    public void Identify_PublishedBlock_ItsFirst72BitsAsText()
    {
        byte[] key = [.. Enumerable.Range(0, 32).Select(i => (byte)i)];
        byte[] block = [.. Enumerable.Range(0, 16).Select(i => (byte)(i * 0x11))];
        Assert.Equal("jqK3ylFnRb_q", new IdentityKey(key).Identify(MemoryMarshal.Read<UInt128>(block)));
    }

    [Fact]
    public void Identify_Many_EachAsAlone()
    {
        var key = new IdentityKey(new byte[32]);
        UInt128[] digests = [.. Enumerable.Range(0, 300).Select(i => IdentityKey.Digest(IdentityRealm.Row, $"row {i}"))];
        string[] alone = [.. digests.Select(key.Identify)];
        char[] all = new char[(digests.Length + 1) * IdentityKey.IdentifierLength];
        key.Identify(digests, all);
        Assert.Equal(string.Concat(alone), new string(all, 0, alone.Length * IdentityKey.IdentifierLength));
        Assert.Equal(alone.Length, alone.Distinct(StringComparer.Ordinal).Count());
        Assert.DoesNotContain(alone, a => a.Contains('-', StringComparison.Ordinal));
        key.Identify([], all);
    }

    [Fact]
    public void Identify_TextRealmOrKeyChanged_AnotherIdentifier()
    {
        string text = new('x', 5_000);
        var (zeros, ones) = (new IdentityKey(new byte[32]), new IdentityKey([.. Enumerable.Repeat((byte)1, 32)]));
        string[] identifiers =
        [
            zeros.Identify(IdentityKey.Digest(IdentityRealm.Row, text)),
            zeros.Identify(IdentityKey.Digest(IdentityRealm.Row, text[1..] + 'y')),
            zeros.Identify(IdentityKey.Digest(IdentityRealm.Phone, text)),
            ones.Identify(IdentityKey.Digest(IdentityRealm.Row, text)),
        ];
        Assert.Equal(identifiers.Length, identifiers.Distinct().Count());
        Assert.Equal(identifiers[0], zeros.Identify(IdentityKey.Digest(IdentityRealm.Row, text)));
    }

    [Theory]
    [InlineData("+44 7700 900285", "07700900285")]
    [InlineData("0117 496 0463", "(0117) 496-0463")]
    public void Of_SamePhoneTypedTwoWays_SamePlace(string a, string b) => Assert.Equal(PlaceText.Parse(a, "", ""), PlaceText.Parse(b, "", ""));

    [Fact]
    public void Of_NoPhone_AddressThenNameThenNothing()
    {
        Assert.Equal((IdentityRealm.Address, "12millrdtown"), PlaceText.Parse("", "12 Mill Rd., Town", "X Y"));
        Assert.Equal((IdentityRealm.Customer, "adaho"), PlaceText.Parse("-", "", "Ada Ho"));
        Assert.Null(PlaceText.Parse("", "", " "));
    }
}
