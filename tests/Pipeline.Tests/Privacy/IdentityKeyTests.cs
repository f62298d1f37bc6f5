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
